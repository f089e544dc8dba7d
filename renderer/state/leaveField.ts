/** Takes what stands half typed in a field: before it is saved, and before the field goes with its view or its window. */
export function leaveField(): void {
  const { activeElement } = document;
  if (activeElement instanceof HTMLInputElement || activeElement instanceof HTMLTextAreaElement)
    activeElement.blur();
}
