const QUOTE = 0x22;
const COMMA = 0x2c;
const LIST = 0x5b;
const BACKSLASH = 0x5c;
const OBJECT = 0x7b;

/**
 * Whether a list or an object, as JSON text, holds more than `most` values, told without making them: a list of nothing
 * takes three characters, and ten times as many bytes once it is made. What holds nothing is counted as if it held one.
 */
export function holdsMoreThan(most: number, json: string): boolean {
  let values = 1;
  let isInText = false;
  for (let i = 0; i < json.length; i += 1) {
    const character = json.charCodeAt(i);
    if (isInText) {
      if (character === BACKSLASH) i += 1;
      else if (character === QUOTE) isInText = false;
    } else if (character === QUOTE) isInText = true;
    // The first value of a list or an object comes with what holds it, each other one with a comma.
    else if (character === COMMA || character === LIST || character === OBJECT) {
      values += 1;
      if (values > most) return true;
    }
  }
  return false;
}
