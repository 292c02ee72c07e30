// The functions of the package psychrolib that the oracles ask; it brings no types of its own.
declare module 'psychrolib' {
  interface Psychrolib {
    readonly SI: number;
    SetUnitSystem(units: number): void;
    /** Pa at °C. */
    GetSatVapPres(temperatureC: number): number;
    /** kg/kg. */
    GetHumRatioFromRelHum(temperatureC: number, share: number, pressurePa: number): number;
    /** °C. */
    GetTDewPointFromRelHum(temperatureC: number, share: number): number;
    GetTWetBulbFromRelHum(temperatureC: number, share: number, pressurePa: number): number;
    /** kg/kg. */
    GetHumRatioFromTWetBulb(temperatureC: number, wetBulbC: number, pressurePa: number): number;
    /** J/kg of dry air. */
    GetMoistAirEnthalpy(temperatureC: number, ratio: number): number;
    /** m³/kg of dry air. */
    GetMoistAirVolume(temperatureC: number, ratio: number, pressurePa: number): number;
  }
  const psychrolib: Psychrolib;
  // biome-ignore lint/style/noDefaultExport: a package of the older kind of modules has this one export
  export default psychrolib;
}
