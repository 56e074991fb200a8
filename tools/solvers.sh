#!/bin/sh
# Sees that the open solvers of the benchmark are there: GLPK and CBC. As root on a
# Debian-like machine missing ones are installed; else this says what to install.
set -eu

if command -v glpsol >/dev/null 2>&1 && command -v cbc >/dev/null 2>&1; then
  exit 0
fi

if [ "$(id -u)" = 0 ] && command -v apt-get >/dev/null 2>&1; then
  echo "installing the solvers for the benchmark of the drafts" >&2
  apt-get update -qq >&2
  DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends glpk-utils coinor-cbc >&2
  exit 0
fi

echo "the benchmark of the drafts needs two solvers: install glpsol and cbc" >&2
echo "(Debian: apt-get install glpk-utils coinor-cbc)" >&2
exit 1
