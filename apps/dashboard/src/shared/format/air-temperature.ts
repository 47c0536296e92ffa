/** Coldest and warmest air that anybody rides in, °C, as the API takes it: beyond it something was mistyped. */
export const AIR_C = { least: -40, most: 55 };

/** Whether a figure is a temperature that a pressure may be reckoned for, °C. */
export const isAirTemperature = (celsius: number): boolean => celsius >= AIR_C.least && celsius <= AIR_C.most;
