import 'reflect-metadata';
import { ApiProperty } from '@nestjs/swagger';

const PROPERTY_LIST = 'swagger/apiModelPropertiesArray';
const PROPERTY = 'swagger/apiModelProperties';

/**
 * The class of an answer that has every field of `input`. What may be left out in a request is always there in
 * an answer, so the OpenAPI document says `required` for all of them.
 */
export function answerOf<Input extends object>(input: new () => Input): new () => Required<Input> {
  class Answer {}
  const names = (Reflect.getMetadata(PROPERTY_LIST, input.prototype) ?? []) as string[];
  for (const name of names.map((listed) => listed.replace(/^:/, ''))) {
    const schema = Reflect.getMetadata(PROPERTY, input.prototype, name) as object;
    ApiProperty({ ...schema, required: true })(Answer.prototype, name);
  }
  return Answer as new () => Required<Input>;
}
