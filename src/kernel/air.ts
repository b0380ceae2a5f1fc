/** The air at the sniffer, as far as it is known. */
export interface AirReading {
  readonly temperatureC?: number | undefined;
  /** Relative humidity, per cent, 0 to 100. */
  readonly humidityPct?: number | undefined;
  readonly pressurePa?: number | undefined;
}
