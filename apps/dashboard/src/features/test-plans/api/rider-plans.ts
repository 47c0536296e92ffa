import { useInfiniteQuery, useQueries, useQuery } from '@tanstack/react-query';
import { setupHistoryQuery } from '../../../shared/http/reads/setups.js';
import { planQuery, plansQuery, progressQuery } from './plans.js';

/**
 * The open plans on a rider's bike, newest first, with the rider's place in each, undefined where it is not read; and all
 * open plans that the person here may see.
 */
export function useRiderPlans(teamId: string, riderId: string, bikeId: string) {
  const plans = useInfiniteQuery(plansQuery(teamId, { state: 'open' }));
  const own = (plans.data ?? []).filter(({ riders }) =>
    riders.some((rider) => rider.riderId === riderId && rider.bikeId === bikeId),
  );
  // So that the plan's page opens without signal.
  useQueries({ queries: own.map(({ id }) => planQuery(teamId, id)) });
  useQuery({ ...setupHistoryQuery(teamId, bikeId), enabled: own.some(({ blind }) => !blind) });
  const places = useQueries({ queries: own.map(({ id }) => progressQuery(teamId, id)) });
  return {
    visible: plans.data ?? [],
    plans: own.map((plan, i) => ({
      ...plan,
      place: places[i]?.data?.find((progress) => progress.riderId === riderId),
    })),
    isKnown: plans.data !== undefined,
    readings: [plans, ...places],
  };
}
