import { NotHere } from '../common/not-here.tsx';
import { Page } from '../common/page.tsx';
import { AboutCheck } from './about-check.tsx';
import { knownCheck, useFitUp } from './check-data.ts';
import { CheckLimit } from './check-limit.tsx';
import { NewCheckScreen } from './new-check-screen.tsx';
import { OneCheck } from './one-check.tsx';

type CheckScreenProps = { readonly jobId: string; readonly checkId: string; readonly field?: string };

/** One check, or one of the things that can be said about it; `new` is where checks are made. */
export function CheckScreen({ jobId, checkId, field }: CheckScreenProps) {
  const { data, missing } = useFitUp(jobId);
  if (missing) return <NotHere what="job" />;
  if (!data) return <Page title=" ">{null}</Page>;
  if (checkId === 'new') return <NewCheckScreen data={data} {...(field !== undefined && { field })} />;
  const check = data.checks.find(({ id }) => id === checkId);
  if (!check) return <NotHere what="check" />;
  const known = knownCheck(data, check);
  if (field === 'about') return <AboutCheck known={known} />;
  if (field === 'lower' || field === 'upper') return <CheckLimit key={field} known={known} side={field} />;
  return <OneCheck job={data.job} known={known} />;
}
