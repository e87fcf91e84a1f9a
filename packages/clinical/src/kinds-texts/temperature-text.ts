type Read = { readonly temperatureCelsius: number; readonly temperatureFahrenheit?: number | undefined };

/** "38.2 degrees C", or "100.8 degrees F (38.2 degrees C)": as it was read, and converted beside it. */
export const degreesText = ({ temperatureCelsius, temperatureFahrenheit }: Read): string =>
  temperatureFahrenheit === undefined
    ? `${temperatureCelsius} degrees C`
    : `${temperatureFahrenheit} degrees F (${temperatureCelsius} degrees C)`;
