import { useRouter } from 'next/navigation';
import { useState } from 'react';
import { type PlantPreview, plantPreviewSchema } from '@/lib/domain/plant/plant-preview';

/** What became of the text: nothing yet, what it would do, saved, or neither because the server did not take it. */
export type EditorState =
  | { kind: 'unchecked' }
  | { kind: 'checked'; preview: PlantPreview }
  | { kind: 'saved' }
  | { kind: 'failed' };

/** Checks and saves the text of a plant file; only a text that was checked without faults can be saved. */
export function usePlantEditor(): {
  state: EditorState;
  isBusy: boolean;
  forget: () => void;
  check: (text: string) => Promise<void>;
  save: (text: string) => Promise<void>;
} {
  const router = useRouter();
  const [state, setState] = useState<EditorState>({ kind: 'unchecked' });
  const [isBusy, setBusy] = useState(false);
  const work = async (next: () => Promise<EditorState>): Promise<void> => {
    setBusy(true);
    setState(await next().catch((): EditorState => ({ kind: 'failed' })));
    setBusy(false);
  };
  return {
    state,
    isBusy,
    forget: () => setState({ kind: 'unchecked' }),
    check: (text) => work(async () => ({ kind: 'checked', preview: await askPreview(text) })),
    save: (text) =>
      work(async () => {
        await putPlant(text);
        router.refresh();
        return { kind: 'saved' };
      }),
  };
}

/** The plant as it is, as a text to start from. */
export async function currentPlantText(): Promise<string> {
  const response = await fetch('/api/plant');
  if (!response.ok) throw new Error(`The plant was answered with ${response.status}.`);
  return JSON.stringify(await response.json(), null, 2);
}

async function askPreview(text: string): Promise<PlantPreview> {
  const response = await fetch('/api/plant/preview', {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ text }),
  });
  if (!response.ok) throw new Error(`The check was answered with ${response.status}.`);
  return plantPreviewSchema.parse(await response.json());
}

async function putPlant(text: string): Promise<void> {
  const response = await fetch('/api/plant', {
    method: 'PUT',
    headers: { 'content-type': 'application/json' },
    body: text,
  });
  if (!response.ok) throw new Error(`The plant file was answered with ${response.status}.`);
}
