import { Button } from '@mantine/core';
import { storedText } from '../../../shared/format/entry.js';
import { Warning } from '../../../shared/ui/note.js';
import { ridingSteps } from '../model/big-step.js';
import { fillText } from '../../../shared/format/fill.js';
import { type Fill } from '../model/fill.js';
import type { Proposal } from '../model/proposal.js';
import { texts } from '../texts.js';

interface BigStepProps {
  readonly now: Fill;
  readonly proposed: Fill;
  readonly onPropose: (proposal: Proposal) => void;
}

/** A large step is split into smaller ones, to be ridden one after another; nothing where it is small. */
export function BigStep({ now, proposed, onPropose }: BigStepProps) {
  const steps = ridingSteps(now, proposed);
  const [first] = steps;
  if (first === undefined || steps.length === 1) return null;
  return (
    <Warning word={texts.bigStepWord}>
      {texts.bigStep(steps.map(fillText).join(' → '))}
      <div className="ll-screen-only">
        <Button
          variant="default"
          mt="xs"
          onClick={() =>
            onPropose({ pressurePsi: storedText(first.pressurePsi), spacers: String(first.spacers) })
          }
        >
          {texts.firstStep}
        </Button>
      </div>
    </Warning>
  );
}
