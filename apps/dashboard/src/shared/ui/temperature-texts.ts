/** Apart from what every page says: the rider's first page loads without it. */
export const temperatureTexts = {
  noAir: (least: string, most: string) => `From ${least} to ${most}; till then the usual one counts.`,
};
