/** Asks for all, so many at a time, the first first; answers stand in the order of what was asked. */
export async function inTurns<Asked, Answer>(
  all: readonly Asked[],
  atATime: number,
  ask: (one: Asked) => Promise<Answer>,
): Promise<Answer[]> {
  const answers: Answer[] = [];
  const rest = all.entries();
  const go = async (): Promise<void> => {
    for (const [i, one] of rest) answers[i] = await ask(one);
  };
  await Promise.all(Array.from({ length: Math.min(atATime, all.length) }, go));
  return answers;
}
