/** A socket without a server: what a page says is kept, what it hears is told by the test. */
export let sockets: FakeSocket[] = [];
export const forgetSockets = (): void => {
  sockets = [];
};

export class FakeSocket {
  static readonly OPEN = 1;
  readyState = 0;
  readonly sent: string[] = [];
  onopen = () => {};
  onmessage = (_: { data: string }) => {};
  onclose = (_: { code: number }) => {};
  constructor(readonly address: string) {
    sockets.push(this);
  }
  open() {
    this.readyState = 1;
    this.onopen();
    this.onmessage({ data: '{"kind":"here"}' });
  }
  hear(message: object) {
    this.onmessage({ data: JSON.stringify(message) });
  }
  send(text: string) {
    this.sent.push(text);
  }
  close(code = 1006) {
    this.readyState = 3;
    this.onclose({ code });
  }
}
