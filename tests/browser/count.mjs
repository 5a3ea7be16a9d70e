// The last line of a run: how many tests passed, and how many did not, those that never ran among them.
export default class Count {
  onBegin(_, suite) {
    this.suite = suite;
  }

  onExit() {
    const tests = this.suite?.allTests() ?? [];
    const passed = tests.filter((test) => test.outcome() === 'expected').length;
    console.log(`${passed} passed, ${tests.length - passed} failed`);
  }
}
