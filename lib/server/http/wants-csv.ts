/** Whether a request asks for its answer as CSV. */
export function wantsCsv(request: Request): boolean {
  const accept = request.headers.get('accept') ?? '';
  return accept.split(',').some((type) => type.split(';')[0]?.trim().toLowerCase() === 'text/csv');
}
