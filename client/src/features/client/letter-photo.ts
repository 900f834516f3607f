const longestSide = 3000;
const quality = 0.85;

/** The same limit as the server's: 10 MiB. */
export const mostBytes = 10 * 1024 * 1024;

/** The size a picture is brought to: its longer side at most `most`, never made larger. */
export function fitted(width: number, height: number, most = longestSide) {
  const by = Math.min(1, most / Math.max(width, height));
  return { width: Math.round(width * by), height: Math.round(height * by) };
}

/**
 * A photograph as a plain picture. Phones put more into the file, such as where it was taken, a second exposure or a short
 * film; none of it is the letter's, and the server refuses a file with something behind its end. What cannot be opened here
 * is sent as it is, and the server says what is wrong with it.
 */
export async function plainPhoto(file: File): Promise<Blob> {
  if (file.type !== 'image/jpeg') return file;
  try {
    const picture = await createImageBitmap(file);
    const { width, height } = fitted(picture.width, picture.height);
    const canvas = document.createElement('canvas');
    canvas.width = width;
    canvas.height = height;
    canvas.getContext('2d')?.drawImage(picture, 0, 0, width, height);
    picture.close();
    return await new Promise<Blob>((resolve) =>
      canvas.toBlob((blob) => resolve(blob ?? file), 'image/jpeg', quality),
    );
  } catch {
    return file;
  }
}
