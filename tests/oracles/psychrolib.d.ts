// The functions of the package psychrolib that the oracles ask; it brings no types of its own.
declare module 'psychrolib' {
  interface Psychrolib {
    readonly SI: number;
    SetUnitSystem(units: number): void;
    /** Pa at °C. */
    GetSatVapPres(temperatureC: number): number;
  }
  const psychrolib: Psychrolib;
  // biome-ignore lint/style/noDefaultExport: a package of the older kind of modules has this one export
  export default psychrolib;
}
