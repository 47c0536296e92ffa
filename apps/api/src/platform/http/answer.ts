import 'reflect-metadata';
import { ApiProperty, PickType } from '@nestjs/swagger';

const PROPERTY_LIST = 'swagger/apiModelPropertiesArray';
const PROPERTY = 'swagger/apiModelProperties';

/**
 * The class of an answer that has every field of `input`. What may be left out in a request is always there in
 * an answer, so the OpenAPI document says `required` for all of them.
 */
export function answerOf<Input extends object>(input: new () => Input): new () => Required<Input> {
  const listed = (Reflect.getMetadata(PROPERTY_LIST, input.prototype) ?? []) as string[];
  const names = listed.map((name) => name.replace(/^:/, '')) as (keyof Input & string)[];
  // With their checks: what was answered once and stored is held against them when it comes back.
  class Answer extends (PickType(input, names) as new () => object) {}
  for (const name of names) {
    const schema = Reflect.getMetadata(PROPERTY, input.prototype, name) as object;
    ApiProperty({ ...schema, required: true })(Answer.prototype, name);
  }
  return Answer as new () => Required<Input>;
}
