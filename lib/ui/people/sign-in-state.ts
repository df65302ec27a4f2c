/** What a sign-in form shows after an attempt: what was typed as a badge, and why nobody was signed in. */
export type SignInState = {
  badge: string;
  /** `unknown_here`: without the server, this device knows only who signed in on it lately. */
  refusal:
    | { code: 'wrong_credentials' | 'unknown_here' }
    | { code: 'too_many_attempts'; retryAfterSeconds: number }
    | null;
};

/** Before the first attempt. */
export const SIGN_IN_UNTRIED: SignInState = { badge: '', refusal: null };

/** A server action that signs in: on success it leads to another page. */
export type SignInAction = (before: SignInState, form: FormData) => Promise<SignInState>;
