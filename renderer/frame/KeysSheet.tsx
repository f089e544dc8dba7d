/** The list of keys. */
import { LetterKeysFlag, Sheet } from './Sheet.tsx';
import { keyHelp } from '../state/commands.ts';

export function KeysSheet() {
  return (
    <Sheet id="keys" heading="Keys" wide>
      <table className="keys-table">
        <tbody>
          {keyHelp.map(({ keys, does }) => (
            <tr key={does}>
              <th scope="row">
                <kbd>{keys}</kbd>
              </th>
              <td>{does}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <LetterKeysFlag />
    </Sheet>
  );
}
