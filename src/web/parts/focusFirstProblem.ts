/** To the first line that needs a look, once it is drawn; the page says at the end of the form how many there are. */
export function focusFirstProblem(form: HTMLFormElement | null): void {
  requestAnimationFrame(() => form?.querySelector<HTMLElement>('[aria-invalid="true"]')?.focus());
}
