/** What the rider's first page says of test plans: apart, so that it loads without the words of the plan pages. */
export const riderTexts = {
  allRidden: 'Every run is ridden.',
  yourNext: (letter: string) => `Ride ${letter} next`,
  yourPlan: 'Your test plan',
};
