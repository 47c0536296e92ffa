export const texts = {
  title: 'How hard this track hits',
  end: 'End of the bike',
  fork: 'Fork',
  shock: 'Shock',
  none: 'No ring readings here yet',
  noneLead:
    'After a run, log how far the ring moved. Each reading becomes a hit height, whoever rode, on whatever set-up.',
  anyRider: 'A rider nobody knows yet',
  bottoms: (bike: string, height: string) => `${bike} bottoms at ${height} m`,
  reading: (day: string, bike: string, height: string) => `${day}, ${bike}: ${height} m`,
  atLeast: (text: string) => `${text} at least, all travel used`,
  atMost: (text: string) => `${text} at most`,
  void: 'void run',
  stillCounts: 'its ring reading counts',
  doesNotCount: 'not counted',
  scatter: (percent: string) => `One rider’s runs here differ by about ${percent} % from one to the next.`,
  forGround: (ground: string) => `Forecasts are for ${ground} ground.`,
};
