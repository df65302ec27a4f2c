'use client';

import { createContext } from 'react';

/** The plant's serial patterns: they tell a serial from the rest of a label whose separators were lost. */
export const SerialPatterns = createContext<readonly string[]>([]);
