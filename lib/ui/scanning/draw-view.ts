// The part of the picture that is looked at, by turns: the frame on the screen, its middle for a small code, all of it.
const SHARES = [0.72, 0.4, 1] as const;
const SIDE_MAX_PX = 560;

/**
 * Draws the part of the camera's picture whose turn it is, in the middle, into a canvas. False while there is no
 * picture yet.
 */
export function drawView(canvas: HTMLCanvasElement, video: HTMLVideoElement, turn: number): boolean {
  const { videoWidth: width, videoHeight: height } = video;
  if (width === 0 || height === 0) return false;
  const share = SHARES[turn % SHARES.length] ?? 1;
  const side = Math.min(width, height) * share;
  const sidePx = Math.min(SIDE_MAX_PX, Math.round(side));
  canvas.width = sidePx;
  canvas.height = sidePx;
  const context = canvas.getContext('2d', { willReadFrequently: true });
  context?.drawImage(video, (width - side) / 2, (height - side) / 2, side, side, 0, 0, sidePx, sidePx);
  return context !== null;
}
