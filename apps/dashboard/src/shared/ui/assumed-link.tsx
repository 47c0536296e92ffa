import type { components } from '../http/generated/schema.js';
import { TextLink } from './link.js';

const TEXT = 'measure or enter it';

interface AssumedLinkProps {
  readonly teamId: string;
  readonly input: Pick<components['schemas']['AssumedInputDto'], 'of' | 'id'>;
}

/** From an assumed figure to the page where it can be measured away. */
export const AssumedLink = (props: AssumedLinkProps) => (
  <>
    {' – '}
    <Way {...props} />
  </>
);

function Way({ teamId, input: { of, id } }: AssumedLinkProps) {
  switch (of) {
    case 'spring unit':
      return (
        <TextLink to="/teams/$teamId/team/spring-units/$unitId" params={{ teamId, unitId: id }}>
          {TEXT}
        </TextLink>
      );
    case 'bike':
      return (
        <TextLink to="/teams/$teamId/team/bikes/$bikeId" params={{ teamId, bikeId: id }}>
          {TEXT}
        </TextLink>
      );
    case 'rider':
      return (
        <TextLink to="/teams/$teamId/team/riders/$riderId" params={{ teamId, riderId: id }}>
          {TEXT}
        </TextLink>
      );
  }
}
