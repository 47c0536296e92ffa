import { useState } from 'react';
import { newKey } from '../../../shared/device/new-key.js';
import { allowedTexts } from '../../../shared/http/field-errors.js';
import type { Track } from '../../../shared/http/reads/tracks.js';
import { formErrors, runMessage, type Ride, type RunErrors, type RunValues } from '../model/run-form.js';
import { runTimer } from '../model/run-timer.js';
import type { QueuedRun } from '../queue/queued-run.js';
import { useRunQueue } from '../queue/use-run-queue.js';
import { myBikeTexts } from '../my-bike-texts.js';
import { texts } from '../texts.js';

/** With a good line the API has answered by then; without one the run waits on the phone, and the rider need not. */
const ANSWER_LIMIT_MS = 2_500;

export interface Saved {
  readonly account: string;
  readonly teamId: string;
  /** What belongs to the run whatever is typed. */
  readonly ride: () => Ride;
  /** The place in a test plan that it is ridden for. */
  readonly plan?: QueuedRun['plan'];
  readonly bikeName: string;
  readonly tracks: readonly Pick<Track, 'id' | 'name'>[];
  /** The key of the refused run in whose place this one comes. */
  readonly corrects: string | undefined;
  /** Told the key of the run that the form is about while it is sent and if it is refused; null once it is off the form. */
  readonly onKey?: (key: string | null) => void;
  readonly onSaved: () => void;
}

interface SaveFailure {
  readonly word: string;
  readonly detail: string;
}

/** Keeps a run on the phone, sends it, and stays on the form only where the API refuses it. */
export function useSaveRun(
  { account, teamId, ride, plan, bikeName, tracks, corrects, onKey, onSaved }: Saved,
  onErrors: (errors: RunErrors) => void,
) {
  const queue = useRunQueue();
  const [isSaving, setIsSaving] = useState(false);
  const [failure, setFailure] = useState<SaveFailure | null>(null);
  // The form stays open on a refused run; the next one takes its place.
  const [refused, setRefused] = useState(corrects);

  const save = async (values: RunValues, isSpoilt: boolean) => {
    setIsSaving(true);
    setFailure(null);
    const key = newKey();
    const track = tracks.find(({ id }) => id === values.trackId)?.name ?? '';
    const run = {
      key,
      account,
      teamId,
      loggedAt: new Date().toISOString(),
      message: runMessage({ ...values, spoilt: isSpoilt }, ride()),
      plan,
      names: { bike: bikeName, track },
      refusal: null,
    };
    onKey?.(key);
    try {
      await (refused === undefined ? queue.add(run) : queue.replace(refused, run));
    } catch {
      onKey?.(null);
      setFailure({ word: texts.notKept, detail: texts.keptHere });
      setIsSaving(false);
      return;
    }
    const left = await queue.settled(key, ANSWER_LIMIT_MS);
    setIsSaving(false);
    if (left?.refusal == null) {
      runTimer.clear();
      onKey?.(null);
      onSaved();
      return;
    }
    setRefused(key);
    setFailure({ word: `${myBikeTexts.refused}: ${left.refusal.title}`, detail: left.refusal.detail });
    onErrors(formErrors(allowedTexts(left.refusal.fields)));
  };
  return { save, isSaving, failure };
}
