import { Button, Group, Stack } from '@mantine/core';
import { useState } from 'react';
import { fieldErrors } from '../../../shared/http/field-errors.js';
import { Empty } from '../../../shared/ui/empty.js';
import { TextLink } from '../../../shared/ui/link.js';
import { Warning } from '../../../shared/ui/note.js';
import { Section } from '../../../shared/ui/page.js';
import { useDropTest, type DropPlace } from '../api/drop-test.js';
import { texts } from '../drop-texts.js';
import {
  anotherSetUp,
  landingErrors,
  landingMessage,
  sameAgain,
  type LandingValues,
} from '../model/drop-form.js';
import { DropResult } from './drop-result.js';
import { LandingRows } from './landing-rows.js';
import { Refusal } from './refusal.js';

interface DropTestProps {
  readonly teamId: string;
  readonly place: DropPlace;
  readonly landings: readonly LandingValues[];
  readonly onChange: (landings: readonly LandingValues[]) => void;
}

/** From landings in the order ridden to what they tell. Made anew for another bike, end or air. */
export function DropTest({ teamId, place, landings, onChange }: DropTestProps) {
  const ask = useDropTest(teamId, place);
  const [found, setFound] = useState<Record<string, string>>({});
  // What was worked out is no longer about what stands there.
  const change = (next: readonly LandingValues[]) => {
    onChange(next);
    setFound({});
    ask.reset();
  };
  const workOut = () => {
    const lacking = landingErrors(landings);
    setFound(lacking);
    if (Object.keys(lacking).length === 0) ask.mutate(landingMessage(landings));
  };
  return (
    <>
      <Section title={texts.landings}>
        {landings.length === 0 ? (
          <Empty
            title={texts.none}
            action={<Button onClick={() => change([anotherSetUp([])])}>{texts.firstLanding}</Button>}
          >
            {texts.noneLead}
          </Empty>
        ) : (
          <Stack gap="md">
            <LandingRows
              landings={landings}
              errors={{ ...fieldErrors(ask.error), ...found }}
              onChange={change}
            />
            <Group className="ll-screen-only">
              <Button variant="default" onClick={() => change([...landings, sameAgain(landings)])}>
                {texts.sameAgain}
              </Button>
              <Button variant="default" onClick={() => change([...landings, anotherSetUp(landings)])}>
                {texts.another}
              </Button>
              <Button loading={ask.isPending} onClick={workOut}>
                {texts.ask}
              </Button>
            </Group>
            {Object.keys(found).length > 0 && (
              <Warning word={`${texts.notAsked}.`} urgent>
                {texts.incomplete}
              </Warning>
            )}
            <Refusal error={ask.error} />
          </Stack>
        )}
      </Section>
      <div aria-live="polite">
        {ask.data !== undefined && (
          <Section title={texts.result}>
            <DropResult answer={ask.data} />
            {ask.data.assumed.length > 0 && (
              <div className="ll-screen-only">
                <TextLink
                  to="/teams/$teamId/bikes/$bikeId/workbench"
                  params={{ teamId, bikeId: place.bikeId }}
                  search={{ end: place.end }}
                >
                  {texts.assumed}
                </TextLink>
              </div>
            )}
          </Section>
        )}
      </div>
    </>
  );
}
