import { useQueryClient } from '@tanstack/react-query';
import { useEffect, useRef, useState } from 'react';
import { addressOf } from '../http/call.js';
import { keys } from '../http/keys.js';
import { openChangeLine, type LineState, type TeamChange } from './change-line.js';

/** One act changes several things at once: they are read again together. ms */
const GATHERED_FOR_MS = 300;

/**
 * Reads what the page shows of the team again as soon as anybody changes it, and tells `onChanges` what was changed.
 * The answer says whether changes are heard; while they are not, the page has to ask by itself.
 */
export function useTeamChanges(
  teamId: string,
  onChanges: (changes: readonly TeamChange[]) => void,
): LineState {
  const queries = useQueryClient();
  const [state, setState] = useState<LineState>('lost');
  const tell = useRef(onChanges);
  useEffect(() => {
    tell.current = onChanges;
  });
  useEffect(() => {
    let gathered: TeamChange[] = [];
    let timer: ReturnType<typeof setTimeout> | undefined;
    const readAgain = () => {
      timer ??= setTimeout(() => {
        timer = undefined;
        void queries.invalidateQueries({ queryKey: keys.team(teamId) });
        if (gathered.length > 0) tell.current(gathered);
        gathered = [];
      }, GATHERED_FOR_MS);
    };
    const close = openChangeLine(addressOf('/api/v1/teams/{teamId}/events', { path: { teamId } }), {
      ready: readAgain,
      changed: (change) => {
        gathered.push(change);
        readAgain();
      },
      state: setState,
    });
    return () => {
      close();
      clearTimeout(timer);
    };
  }, [queries, teamId]);
  return state;
}
