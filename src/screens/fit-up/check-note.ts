import type { MeasuringTool } from '../../engine/reading/measuring-tool.ts';
import { quantityOf, sayCheckState, sayWanted } from '../../engine/reading/say-check.ts';
import type { ShownUnit } from '../../engine/length/show.ts';
import type { Store } from '../../store/opening/open-store.ts';
import type { ProofNote } from '../readings/use-proof-note.ts';
import type { Feature } from '../../store/base/records.ts';
import { measuringTools } from '../../store/kept/tools.ts';
import { knownCheck, loadFitUp } from './check-data.ts';
import { cannotProve } from './check-proof.ts';
import { sayVerdictWord } from '../../engine/reading/say-verdict.ts';
import { capital, uncapital } from '../../engine/length/say-words.ts';

/** Said on the pad while a check is read: what is wanted and whether this tool can prove it, then what was found. */
export async function checkNote(
  store: Store,
  feature: Feature,
  tool: MeasuringTool | undefined,
  unit: ShownUnit,
): Promise<ProofNote | undefined> {
  const [data, tools] = await Promise.all([loadFitUp(store, feature.jobId), measuringTools(store)]);
  const check = data?.checks.find(({ id }) => id === feature.checkId);
  if (!data || !check) return undefined;
  const known = knownCheck(data, check);
  const { limits, state, takes } = known;
  const isLast = takes.at(-1)?.featureId === feature.id;
  if (!isLast) return { said: 'An earlier go at this check; a later one counts.' };
  const said = { name: check.name, by: check.by, limits, unit };
  const { last } = state;
  if (last.kind === 'judged') {
    const word = uncapital(sayVerdictWord(last.verdict, quantityOf(said)));
    return { said: sayCheckState(state, said), verdict: { kind: last.verdict.kind, word } };
  }
  if (last.kind !== 'nothing-yet') return { said: sayCheckState(state, said) };
  const doubt =
    tool && check.by !== 'by-eye' ? cannotProve({ by: check.by, limits, tool, tools, unit }) : undefined;
  return { said: doubt ?? `${capital(sayWanted(said))}.` };
}
