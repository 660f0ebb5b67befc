/** Runs requests with limited concurrency, in order; answers keep the order of the requests. */
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
