import '../base/jitless.ts';
import * as z from 'zod/mini';
import type { MoneyLine } from '../base/records.ts';
import { decimalText, id, line, stamped, time, type RecordKind } from '../base/schema-common.ts';

/** Hours as decimal text, as hours and minutes (`1:20` never ends as a decimal), or as a fraction. */
const hoursText = z
  .string()
  .check(z.regex(/^(?:(?:0|[1-9]\d{0,5})(?:\.\d{1,6}|:[0-5]\d)?|(?:\d{1,6} )?\d{1,6}\/0*[1-9]\d{0,5})$/));

export const moneySchema = z.looseObject({
  ...stamped,
  jobId: id,
  what: line,
  amount: z.exactOptional(decimalText),
  hours: z.exactOptional(hoursText),
  rate: z.exactOptional(decimalText),
  createdAt: time,
});

export const moneyKind: RecordKind<MoneyLine> = { store: 'money', schema: moneySchema };
