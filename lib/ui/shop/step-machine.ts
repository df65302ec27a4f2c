import { useState, useSyncExternalStore } from 'react';

/** A pure step: the state after an input, and what is to be done. */
export type Advance<State, Input, Effect> = (
  state: State,
  input: Input,
) => { state: State; effects: readonly Effect[] };

/** Keeps a state that only a pure function changes, and has its effects done in order. */
export class StepMachine<State, Input, Effect> {
  readonly #listeners = new Set<() => void>();
  #state: State;
  advance: Advance<State, Input, Effect>;
  run: (effect: Effect) => void = () => undefined;

  constructor(initial: State, advance: Advance<State, Input, Effect>) {
    this.#state = initial;
    this.advance = advance;
  }

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };

  readonly state = (): State => this.#state;

  readonly dispatch = (input: Input): void => {
    const { state, effects } = this.advance(this.#state, input);
    this.#state = state;
    for (const listener of this.#listeners) listener();
    for (const effect of effects) this.run(effect);
  };
}

/** A machine for the life of a component; `advance` and `run` are those of the latest render. */
export function useStepMachine<State, Input, Effect>(options: {
  initial: State;
  advance: Advance<State, Input, Effect>;
  run: (effect: Effect) => void;
}): { state: State; dispatch: (input: Input) => void } {
  const [machine] = useState(() => new StepMachine(options.initial, options.advance));
  machine.advance = options.advance;
  machine.run = options.run;
  const state = useSyncExternalStore(machine.subscribe, machine.state, machine.state);
  return { state, dispatch: machine.dispatch };
}
