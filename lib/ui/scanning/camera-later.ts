import dynamic from 'next/dynamic';

/** See `camera-panel.tsx`; camera and decoder come when a camera is first opened. */
export const CameraPanel = dynamic(
  () => import('@/lib/ui/scanning/camera-panel').then((module) => module.CameraPanel),
  { ssr: false },
);
