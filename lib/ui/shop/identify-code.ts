import { codeFault } from '@/lib/domain/codes';
import { type ScanPicture, scanPictureSchema } from '@/lib/domain/station/scan-picture';
import { apiPath, readApi } from '@/lib/offline/read-api';

/** Asks the server what a code names; null without an answer. What cannot be a code names nothing. */
export async function identifyCode(code: string): Promise<ScanPicture | null> {
  if (codeFault(code) !== null)
    return {
      code,
      unit: null,
      item: null,
      container: null,
      isContainerLike: false,
      label: null,
      isPart: false,
      serialOf: [],
      startable: [],
    };
  const answer = await readApi(apiPath('/api/scan', { code }), scanPictureSchema);
  return answer.ok ? answer.data : null;
}
