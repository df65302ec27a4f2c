/** A CSV file (RFC 4180, with a header) as it is made. */
export function csvResponse(csv: ReadableStream, filename: string): Response {
  return new Response(csv, {
    headers: {
      'content-type': 'text/csv; charset=utf-8; header=present',
      'content-disposition': `attachment; filename="${filename}"`,
    },
  });
}
