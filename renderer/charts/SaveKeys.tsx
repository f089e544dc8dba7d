/** Keys that save what is shown as a file. */
import { Download, ImageDown } from 'lucide-react';
import { downloadText, downloadUrl, fileName } from '../state/downloads.ts';

interface SaveKeyProps<T> {
  /** heading of what is saved */
  readonly of: string;
  /** behind the name of the plan, in the name of the file, without its ending */
  readonly saveAs: string;
  readonly make: () => T;
}

export function CsvKey({ of, saveAs, make }: SaveKeyProps<string>) {
  return (
    <button
      type="button"
      className="key"
      aria-label={`${of}: CSV`}
      title="Save as CSV"
      onClick={() => {
        downloadText(fileName(`-${saveAs}.csv`), 'text/csv', make());
      }}
    >
      <Download aria-hidden="true" />
    </button>
  );
}

/** @param make the address of the picture */
export function PictureKey({ of, saveAs, make }: SaveKeyProps<string | Promise<string>>) {
  const save = async (): Promise<void> => {
    downloadUrl(fileName(`-${saveAs}.png`), await make());
  };
  return (
    <button
      type="button"
      className="key"
      aria-label={`${of}: picture`}
      title="Save as a picture"
      onClick={() => void save()}
    >
      <ImageDown aria-hidden="true" />
    </button>
  );
}
