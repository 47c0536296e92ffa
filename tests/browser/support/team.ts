import { Caller } from './caller.js';

interface Stored {
  readonly id: string;
}

/** Who signs in to the pages. */
export interface Person {
  readonly email: string;
  readonly password: string;
}

const PASSWORD = 'a sentence for the tests';
const person = (name: string): Person => ({ email: `${name}@tests.example`, password: PASSWORD });

export const MECHANIC = person('mechanic');
export const COACH = person('coach');
export const RIDER = person('rider');

/** Figures of the invented generic 170 mm fork and 65 mm shock. */
export const FORK = {
  kind: 'fork',
  strokeMm: 170,
  boreAreaMm2: 907.9,
  shaftAreaMm2: 78.54,
  positiveVolumeMl: 227,
  spacerVolumeMl: 10,
  negativeVolumeMl: 31.7,
  transferPositionMm: 3,
  lowerLegVolumeMl: 703.7,
  lowerLegAreaMm2: 2111.2,
  bumperLengthMm: 8,
  bumperEndForceN: 1500,
  damperLowSpeedNsPerM: 600,
  damperKneeSpeedMPerS: 0.25,
  damperHighSpeedNsPerM: 180,
  sealFrictionN: 18,
  minPressurePsi: 40,
  maxPressurePsi: 120,
  maxSpacers: 5,
};
export const SHOCK = {
  kind: 'shock',
  strokeMm: 65,
  boreAreaMm2: 1320.3,
  shaftAreaMm2: 126.7,
  positiveVolumeMl: 136.3,
  spacerVolumeMl: 7,
  negativeVolumeMl: 17.43,
  transferPositionMm: 2,
  bumperLengthMm: 6,
  bumperEndForceN: 4000,
  damperLowSpeedNsPerM: 3500,
  damperKneeSpeedMPerS: 0.12,
  damperHighSpeedNsPerM: 1100,
  sealFrictionN: 60,
  minPressurePsi: 100,
  maxPressurePsi: 300,
  maxSpacers: 4,
};
export const BIKE = {
  category: 'enduro',
  massKg: 15.5,
  frontUnsprungMassKg: 4.3,
  rearUnsprungMassKg: 5,
  headAngleDeg: 64,
  wheelbaseMm: 1250,
  frontWheelTravelMm: 170,
  rearWheelTravelMm: 165,
  leverageTable: [
    { shockTravelMm: 0, leverageRatio: 3.05 },
    { shockTravelMm: 32.5, leverageRatio: 2.7 },
    { shockTravelMm: 65, leverageRatio: 2.4 },
  ],
};
/** Nobody has entered what the manual allows. */
export const WITHOUT_LIMITS = { minPressurePsi: undefined, maxPressurePsi: undefined, maxSpacers: undefined };
const RING_READINGS_MM = [
  { fork: 128, shock: 46 },
  { fork: 144, shock: 51 },
  { fork: 170, shock: 58 },
  { fork: 137, shock: 49 },
];

/**
 * A small team through the same routes as any client: a rider whose bike is set up and has runs on one track, a
 * bike that nobody has set up, and one person of each role.
 */
export async function createTeam(address: string): Promise<void> {
  const mechanic = new Caller(address);
  await mechanic.post('/accounts', { ...MECHANIC, displayName: 'Workshop' });
  const team = `/teams/${(await mechanic.post<Stored>('/teams', { name: 'Test team' })).id}`;
  const make = (path: string, message: object) => mechanic.post<Stored>(`${team}${path}`, message);

  const rider = await make('/riders', { name: 'Rider Fern', readyMassKg: 74, readyMassSource: 'measured' });
  const track = await make('/tracks', {
    name: 'Slate Ladder',
    altitudeM: 1450,
    sections: ['Ladder', 'Slab'],
  });
  const bikes: Stored[] = [];
  for (const name of ['Fern, enduro', 'Fern, spare']) {
    const fork = await make('/spring-units', { ...FORK, name: `Fork of ${name}` });
    const shock = await make('/spring-units', { ...SHOCK, name: `Shock of ${name}` });
    bikes.push(
      await make('/bikes', { ...BIKE, name, riderId: rider.id, forkUnitId: fork.id, shockUnitId: shock.id }),
    );
  }
  const [bike] = bikes;
  await make('/setups', {
    bikeId: bike?.id,
    fork: { pressurePsi: 71, spacers: 2, reboundClicks: 8, compressionClicks: 5 },
    shock: { pressurePsi: 185, spacers: 1 },
    reason: 'Stay higher under braking.',
  });
  for (const [index, { fork, shock }] of RING_READINGS_MM.entries()) {
    await make('/runs', {
      bikeId: bike?.id,
      trackId: track.id,
      day: '2026-05-09',
      condition: 'damp',
      timeS: 187 + index,
      fork: { travelUsedMm: fork },
      shock: { travelUsedMm: shock },
    });
  }
  await join(address, make, COACH, { role: 'coach' });
  await join(address, make, RIDER, { role: 'rider', riderId: rider.id });
}

/** Invites a person and lets them join by the link. */
async function join(
  address: string,
  make: (path: string, message: object) => Promise<unknown>,
  who: Person,
  invitation: object,
): Promise<void> {
  const { path } = (await make('/invitations', invitation)) as { path: string };
  const [, token] = path.split('#');
  await new Caller(address).post('/invitations/accept', { ...who, token, displayName: who.email });
}
