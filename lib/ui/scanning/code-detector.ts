/** Finds codes in a picture. */
export type CodeDetector = (picture: HTMLCanvasElement) => Promise<string[]>;

type PlatformDetector = { detect(picture: HTMLCanvasElement): Promise<{ rawValue: string }[]> };
type PlatformDetectorClass = {
  new (options: { formats: string[] }): PlatformDetector;
  getSupportedFormats(): Promise<string[]>;
};

const FORMATS = ['qr_code', 'data_matrix'];

declare global {
  interface Window {
    /** The platform's detector (Shape Detection API), where there is one. */
    BarcodeDetector?: PlatformDetectorClass;
  }
}

/** The platform's own detector where it reads QR and Data Matrix, else the decoder that html5-qrcode brings. */
export async function openCodeDetector(): Promise<CodeDetector> {
  return (await platformDetector()) ?? (await broughtDetector());
}

async function platformDetector(): Promise<CodeDetector | null> {
  const Detector = window.BarcodeDetector;
  if (Detector === undefined) return null;
  try {
    const supported = await Detector.getSupportedFormats();
    if (!FORMATS.every((format) => supported.includes(format))) return null;
    const detector = new Detector({ formats: FORMATS });
    return async (picture) => (await detector.detect(picture)).map(({ rawValue }) => rawValue);
  } catch {
    return null;
  }
}

async function broughtDetector(): Promise<CodeDetector> {
  const [{ ZXingHtml5QrcodeDecoder }, { BaseLoggger, Html5QrcodeSupportedFormats }] = await Promise.all([
    import('html5-qrcode/esm/zxing-html5-qrcode-decoder'),
    import('html5-qrcode/esm/core'),
  ]);
  const formats = [Html5QrcodeSupportedFormats.QR_CODE, Html5QrcodeSupportedFormats.DATA_MATRIX];
  const decoder = new ZXingHtml5QrcodeDecoder(formats, false, new BaseLoggger(false));
  return async (picture) => {
    try {
      return [(await decoder.decodeAsync(picture)).text];
    } catch {
      // It throws when it sees no code, which is the usual case.
      return [];
    }
  };
}
