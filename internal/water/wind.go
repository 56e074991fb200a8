package water

// LeastWindMS is the least wind that evapotranspiration is reckoned with [m/s at
// 2 m]: in still air warm ground stirs it of itself (FAO-56, page 63; recalled, not read again).
const LeastWindMS = 0.5
