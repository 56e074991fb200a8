// Solves an MPS file with HiGHS: node solve.mjs PROBLEM SOLUTION SECONDS.
// Tells on its output, one object of JSON a line, every better plan and bound as it
// is found, and at the end how the run came out.
import { readFileSync, writeFileSync, writeSync } from "node:fs";
import load from "highs";

const [problem, solution, seconds] = process.argv.slice(2);
const tell = (what) => writeSync(1, JSON.stringify(what) + "\n");

const highs = await load();
const model = highs.createModel({ format: "mps", data: readFileSync(problem) });
model.options.set({ output_flag: false, time_limit: Number(seconds), mip_rel_gap: 0 });
const { mipImprovingSolution, mipLogging } = highs.constants.callbackType;
model.run({
  [mipImprovingSolution]: (event) => tell({ objective: event.data.objective_function_value }),
  [mipLogging]: (event) => tell({ bound: event.data.mip_dual_bound }),
});
tell({ bound: model.info.get("mip_dual_bound"), closed: model.getModelStatus() === highs.constants.modelStatus.optimal });
writeFileSync(solution, model.exportSolution());
model.dispose();
