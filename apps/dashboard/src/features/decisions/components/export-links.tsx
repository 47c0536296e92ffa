import { Button } from '@mantine/core';
import type { DecisionFilter } from '../../../shared/http/reads/decisions.js';
import { texts } from '../texts.js';

/** The decisions shown, as files. */
export function ExportLinks({ teamId, filter }: { teamId: string; filter: DecisionFilter }) {
  const query = new URLSearchParams({ ...filter }).toString();
  const path = `/api/v1/teams/${teamId}/decisions/export`;
  const address = (base: string) => (query === '' ? base : `${base}?${query}`);
  return (
    <>
      <Button component="a" variant="default" href={address(path)} download>
        {texts.exportCsv}
      </Button>
      <Button component="a" variant="default" href={address(`${path}/json`)} download>
        {texts.exportJson}
      </Button>
    </>
  );
}
