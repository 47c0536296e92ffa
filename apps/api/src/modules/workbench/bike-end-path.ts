import { ChoiceField, IdField } from '../../platform/http/fields.js';
import { ENDS, type End } from '../suspension/end-inputs.js';

/** The end of a bike in the path of a route. */
export class BikeEndPath {
  @IdField({ description: 'The team.' })
  teamId: string;

  @IdField({ description: 'The bike.' })
  bikeId: string;

  @ChoiceField({ description: 'Which end of the bike.', choices: ENDS })
  end: End;
}
