import { pageTitle } from '@/app/page-words';
import { codesOfForm, labelFormSchema, stockOfForm } from '@/lib/domain/labels/label-form';
import { may } from '@/lib/domain/people/permissions';
import { previewLabels } from '@/lib/server/labels/preview-labels';
import { returnPath } from '@/lib/server/people/return-path';
import { requirePrincipal } from '@/lib/server/require-principal';
import { LabelsPage } from '@/lib/ui/labels/labels-page';

export const generateMetadata = pageTitle(({ labels }) => labels.title);

/** Labels of units, items, containers and badges: what the address asks for is shown, and printed on a press. */
export default async function LabelsRoute({
  searchParams,
}: {
  searchParams: Promise<Record<string, string | string[] | undefined>>;
}) {
  const search = await searchParams;
  const principal = await requirePrincipal('screen:labels', { returnTo: returnPath('/labels', search) });
  const asked = labelFormSchema.parse(search);
  const mayBadges = may(principal, 'people:manage');
  const form = asked.kind === 'badge' && !mayBadges ? { ...asked, kind: 'unit' as const } : asked;
  const { stock, isChangeRefused } = stockOfForm(form, search);
  const { codes, bad } = codesOfForm(form);
  const preview = await previewLabels({ kind: form.kind, codes, symbol: form.symbol, stock });
  return (
    <LabelsPage
      key={JSON.stringify([form, stock])}
      form={form}
      stock={stock}
      isStockRefused={isChangeRefused}
      badCode={bad}
      codes={codes}
      mayBadges={mayBadges}
      {...preview}
    />
  );
}
