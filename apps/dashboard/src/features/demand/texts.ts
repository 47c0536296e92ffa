import { withUnit } from '../../shared/format/with-unit.js';

export const texts = {
  title: 'How hard this track hits',
  end: 'End of the bike',
  fork: 'Fork',
  shock: 'Shock',
  none: 'No ring readings here yet',
  noneLead:
    'After a run, log how far the ring moved. Each reading becomes a hit height, whoever rode, on whatever set-up.',
  anyRider: 'A rider nobody knows yet',
  bottoms: (bike: string, height: string) => `${bike} bottoms at ${withUnit(height, 'm')}`,
  reading: (day: string, bike: string, height: string) => `${day}, ${bike}: ${withUnit(height, 'm')}`,
  atLeast: (text: string) => `${text} at least, all travel used`,
  atMost: (text: string) => `${text} at most`,
  void: 'void run',
  stillCounts: 'its ring reading counts',
  doesNotCount: 'not counted',
  scatter: (percent: string) =>
    `One rider’s runs here differ by about ${withUnit(percent, '%')} from one to the next.`,
  surprising: (text: string) => `${text}; surprising, look again at ring, tape and notebook`,
  /** How differently a track suits single riders, and how that is known. */
  riderOnTrack: {
    'told by runs': (percent: string) =>
      `How a track suits one rider differs by about ${withUnit(percent, '%')}, as your runs tell.`,
    'mostly prior': (percent: string) =>
      `How a track suits one rider is taken to differ by about ${withUnit(percent, '%')}: mostly assumed, until five riders have three readings on each of three tracks.`,
    given: (percent: string) =>
      `How a track suits one rider is laid down to differ by ${withUnit(percent, '%')}.`,
  },
  forGround: (ground: string) => `Forecasts are for ${ground} ground.`,
};
