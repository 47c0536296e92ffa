import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { RepeatedStatements } from './repeated-statements.js';

describe('the statements that the server keeps for a connection', () => {
  it('are those that came before, each under one name of its own', () => {
    fc.assert(
      fc.property(fc.array(fc.constantFrom('a', 'b', 'c', 'd'), { maxLength: 60 }), (texts) => {
        const statements = new RepeatedStatements();
        const textOf = new Map<string, string>();
        const came = new Set<string>();
        for (const text of texts) {
          const name = statements.nameOf(text);
          expect(name !== undefined).toBe(came.has(text));
          came.add(text);
          if (name === undefined) continue;
          expect(textOf.get(name) ?? text).toBe(text);
          textOf.set(name, text);
        }
      }),
    );
  });

  it('get another name after what was kept of them is of no use', () => {
    const statements = new RepeatedStatements();
    const names = Array.from({ length: 4 }, () => statements.nameOf('a'));
    statements.forget('a');
    expect(statements.nameOf('a')).toBeUndefined();
    expect(statements.nameOf('a')).not.toBe(names[3]);
    expect(names[2]).toBe(names[3]);
  });

  it('stay few, however many different ones come twice or once', () => {
    const statements = new RepeatedStatements();
    const named = new Set<string>();
    for (let i = 0; i < 5_000; i += 1) {
      statements.nameOf(`once ${i}`);
      for (let twice = 0; twice < 2; twice += 1) {
        const name = statements.nameOf(`twice ${i}`);
        if (name !== undefined) named.add(name);
      }
    }
    expect(named.size).toBe(200);
  });
});
