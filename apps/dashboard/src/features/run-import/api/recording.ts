import { useMutation } from '@tanstack/react-query';
import { api, asFile, bodyOf, idempotencyKey } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';
import { keys } from '../../../shared/http/keys.js';
import type { Ground } from '../../../shared/http/reads/baselines.js';
import { useSubmission } from '../../../shared/http/use-submission.js';

export type RecordingPreview = components['schemas']['RecordingPreviewDto'];

const GPX = 'application/gpx+xml';

/** A file, and what is known about it that does not stand in it. */
export interface Recording {
  readonly gpx: string;
  readonly query: {
    readonly trackId: string;
    readonly bikeId: string;
    readonly condition: Ground;
    readonly positionSdM?: number;
    readonly utcOffsetMin: number;
  };
}

/** The runs in a recording; stores nothing. */
export const usePreviewRecording = (teamId: string) =>
  useMutation({
    mutationFn: ({ gpx, query }: Recording) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/runs/import-recording/preview', {
          params: { path: { teamId }, query },
          ...asFile(GPX, gpx),
        }),
      ),
  });

/** Stores the runs of a recording: all of them or none. */
export const useImportRecording = (teamId: string) =>
  useSubmission({
    send: ({ gpx, query }: Recording, key) => {
      const { headers, ...file } = asFile(GPX, gpx);
      return bodyOf(
        api.POST('/api/v1/teams/{teamId}/runs/import-recording', {
          params: { path: { teamId }, query },
          headers: { ...headers, ...idempotencyKey(key) },
          ...file,
        }),
      );
    },
    refreshes: [keys.team(teamId)],
  });
