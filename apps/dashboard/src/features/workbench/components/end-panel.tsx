import { Text } from '@mantine/core';
import type { BikeEnds } from '../api/bike-ends.js';
import { LinkButton, TextLink } from '../../../shared/ui/link.js';
import { Warning } from '../../../shared/ui/note.js';
import { Empty } from '../../../shared/ui/empty.js';
import type { FillField } from '../model/fill.js';
import type { Proposal } from '../model/proposal.js';
import { texts } from '../texts.js';
import { EndBench } from './end-bench.js';
import type { EndInHand } from './use-end.js';

interface EndPanelProps {
  readonly teamId: string;
  readonly inHand: Omit<EndInHand, 'onPropose'>;
  readonly onPropose: (proposal: Proposal) => void;
  readonly ends: BikeEnds;
  /** What the API has refused of this end, by field. */
  readonly refused: Readonly<Partial<Record<FillField, string>>>;
  readonly canSetUp: boolean;
  readonly canChange: boolean;
}

/** An end of the bike at the bench, or why it cannot be put there and what to do about it. */
export function EndPanel(props: EndPanelProps) {
  const { teamId, ends, inHand, canSetUp, ...rest } = props;
  const { opened, proposal, proposed } = inHand;
  if (opened?.status === 'not set up')
    return <NotSetUp teamId={teamId} bikeId={ends.bikeId} canSetUp={canSetUp} />;
  if (opened?.status === 'impossible') {
    return (
      <>
        <Warning word={texts.impossibleWord} urgent>
          {texts.impossible(opened.refusal.message)}
        </Warning>
        <Text>
          <TextLink
            to="/teams/$teamId/team/spring-units/$unitId"
            params={{ teamId, unitId: opened.end.unitId }}
          >
            {texts.correct}
          </TextLink>
        </Text>
      </>
    );
  }
  if (opened === null || proposed === null) return null;
  return (
    <EndBench teamId={teamId} bench={opened} ends={ends} proposal={proposal} proposed={proposed} {...rest} />
  );
}

interface NotSetUpProps {
  readonly teamId: string;
  readonly bikeId: string;
  readonly canSetUp: boolean;
}

/** Nobody has said yet what is in it: where to begin. */
export function NotSetUp({ teamId, bikeId, canSetUp }: NotSetUpProps) {
  return (
    <Empty
      title={texts.notSetUp}
      action={
        canSetUp && (
          <LinkButton to="/teams/$teamId/bikes/$bikeId/new-set-up" params={{ teamId, bikeId }}>
            {texts.setUp}
          </LinkButton>
        )
      }
    >
      {texts.notSetUpLead}
    </Empty>
  );
}
