/** Two sensors: the first at two heater steps, the second at one. */
export const twoSensors = {
  format: "nidor-channels/1",
  sweepPeriodMs: 1000,
  warmUpMs: 6000,
  channels: [
    {
      sensor: 0,
      heaterC: 200,
      dwellMs: 300,
      resistance: "in_resistance0",
      heater: [{ attribute: "out_voltage0_raw", value: "900" }],
    },
    {
      sensor: 0,
      heaterC: 320,
      dwellMs: 500,
      resistance: "in_resistance0",
      heater: [{ attribute: "out_voltage0_raw", value: "1500" }],
    },
    {
      sensor: 1,
      heaterC: 150,
      dwellMs: 400,
      resistance: "in_resistance1",
      heater: [{ attribute: "out_voltage1_raw", value: "700" }],
    },
  ],
  air: { temperature: "in_temp", humidity: "in_humidityrelative", pressure: "in_pressure" },
  purge: {
    forMs: 5000,
    heater: [
      { attribute: "out_voltage0_raw", value: "2000" },
      { attribute: "out_voltage1_raw", value: "2000" },
    ],
  },
  off: [
    { attribute: "out_voltage0_raw", value: "0" },
    { attribute: "out_voltage1_raw", value: "0" },
  ],
  range: { lowestOhm: 100, highestOhm: 1e8 },
};
