import { useMutation } from '@tanstack/react-query';
import { api, bodyOf } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';

export type Landing = components['schemas']['DropLandingDto'];
export type DropTestAnswer = components['schemas']['DropTestAnswerDto'];
export type End = 'fork' | 'shock';

/** Which end of which bike landed, in which air; without a track in that of sea level. */
export interface DropPlace {
  readonly bikeId: string;
  readonly end: End;
  readonly trackId: string | undefined;
}

/** Asks what the landings tell; nothing is stored. */
export const useDropTest = (teamId: string, { bikeId, end, trackId }: DropPlace) =>
  useMutation({
    mutationFn: (landings: Landing[]) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/bikes/{bikeId}/ends/{end}/spring/drop-test', {
          params: { path: { teamId, bikeId, end }, query: trackId === undefined ? {} : { trackId } },
          body: { landings },
        }),
      ),
  });
