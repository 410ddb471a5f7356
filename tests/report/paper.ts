import { ReportPdf } from '../../server/report/pdf.ts';
import type { Part } from '../../src/report/report.ts';

/** The PDF of a report. */
export async function paperOf(parts: readonly Part[], title = 'test'): Promise<Buffer> {
  const pdf = new ReportPdf(parts, { title, at: Date.UTC(2026, 2, 6, 8) });
  for (const part of parts) pdf.count(part);
  for (const part of parts) pdf.print(part);
  return pdf.end();
}
