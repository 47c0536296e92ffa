import { useMutation } from '@tanstack/react-query';
import { api, asFile, bodyOf } from '../../../shared/http/client.js';
import type { components } from '../../../shared/http/generated/schema.js';

export type ImportPreview = components['schemas']['ImportPreviewDto'];

/** What an import would store, and everything that stands against it; stores nothing. */
export const usePreviewImport = (teamId: string) =>
  useMutation({
    mutationFn: (csv: string) =>
      bodyOf(
        api.POST('/api/v1/teams/{teamId}/runs/import/preview', {
          params: { path: { teamId } },
          ...asFile('text/csv', csv),
        }),
      ),
  });
