"""Samples for every part of the general suite for Jupyter kernels; run by the tests beside this file."""
import unittest

import jupyter_kernel_test


class SpindlewrightKernelTests(jupyter_kernel_test.KernelTests):
    kernel_name = "spindlewright"
    language_name = "csharp"
    file_extension = ".cs"

    @classmethod
    def setUpClass(cls):
        super().setUpClass()
        # The suite waits 15 s for any cell. The first waits for the start of the compiler, which a loaded machine delays.
        cls.kc.execute_interactive("1", silent=True, store_history=False, timeout=120)

    code_hello_world = 'Console.WriteLine("hello, world");'
    code_stderr = 'Console.Error.WriteLine("something is wrong");'

    completion_samples = [
        {"text": "Power.FromKilow", "matches": ["FromKilowatts"]},
        {"text": "CircuitSolver.LockedR", "matches": ["LockedRotor"]},
        {"text": "thereIsNoSuchName", "matches": []},
    ]

    complete_code_samples = ["1 + 1", "var spindle = 310;", "int Twice(int n) => 2 * n;"]
    incomplete_code_samples = ["if (true) {", "var list = new[] {", "Math.Pow(2,"]
    invalid_code_samples = ["var x = ) 3;", "foreach } 1"]

    code_page_something = "CircuitSolver.Solve?"
    code_generate_error = 'throw new InvalidOperationException("stalled");'

    code_execute_result = [
        {"code": "1 + 2 + 3", "result": "6"},
        {"code": "Power.FromKilowatts(0.75)", "result": "0.75 kW"},
        {"code": '$"{(char)0x2300} {char.ConvertFromUtf32(0x1F529)}"', "result": "\u2300 \U0001F529"},
    ]
    code_display_data = [
        {"code": 'ShowAs("text/html", "<b>bold</b>");', "mime": "text/html"},
        {"code": 'ShowAs("image/svg+xml", "<svg xmlns=\\"http://www.w3.org/2000/svg\\"/>");', "mime": "image/svg+xml"},
        {"code": "Show(Cautions.Sections[0]);", "mime": "text/plain"},
    ]

    code_history_pattern = "1 ? 2*"
    supported_history_operations = ("tail", "range", "search")
    code_inspect_sample = "CircuitSolver.Solve"
    code_clear_output = "ClearOutput();"


if __name__ == "__main__":
    unittest.main()
