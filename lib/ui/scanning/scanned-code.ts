import type { LabelFacts } from '@/lib/domain/scanning/label-facts';

/** Takes a code that was scanned, with what else its label says; null for a bare code. */
export type OnScan = (code: string, label: LabelFacts | null) => void;

/** Where a scan came from: typed by a person, typed by a scanner, or seen by the camera. */
export type ScanSource = 'typed' | 'wedge' | 'camera';
