import type { EndBaseline } from '../../../shared/http/reads/baselines.js';
import { TextLink } from '../../../shared/ui/link.js';
import { texts } from '../texts.js';

interface AssumedLinkProps {
  readonly teamId: string;
  readonly input: EndBaseline['assumed'][number];
}

/** From an assumed figure to the page where it can be measured away. */
export function AssumedLink({ teamId, input: { of, id } }: AssumedLinkProps) {
  const text = ` – ${texts.change}`;
  switch (of) {
    case 'spring unit':
      return (
        <TextLink to="/teams/$teamId/team/spring-units/$unitId" params={{ teamId, unitId: id }}>
          {text}
        </TextLink>
      );
    case 'bike':
      return (
        <TextLink to="/teams/$teamId/team/bikes/$bikeId" params={{ teamId, bikeId: id }}>
          {text}
        </TextLink>
      );
    case 'rider':
      return (
        <TextLink to="/teams/$teamId/team/riders/$riderId" params={{ teamId, riderId: id }}>
          {text}
        </TextLink>
      );
  }
}
