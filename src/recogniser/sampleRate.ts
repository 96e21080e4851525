/** The ear works on 16 kHz mono sound, −1..1; whatever comes in at another rate is resampled first. */
export const sampleRateHz = 16_000;
