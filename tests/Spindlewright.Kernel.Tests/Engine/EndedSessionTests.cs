using Spindlewright.Kernel.Engine;
using Spindlewright.Kernel.Engine.Processes;

namespace Spindlewright.Kernel.Tests.Engine;

public sealed class EndedSessionTests
{
    [Fact]
    public void Asking_for_the_end_of_a_process_that_was_let_go_does_no_harm()
    {
        // The thread that reads a child's events asks at the moment when another disposes of the child.
        var child = ChildProcess.Start(new ChildCommand("sh", ["-c", "cat"]), null);
        child.Dispose();
        Assert.Null(child.WaitForExit(TimeSpan.Zero));
    }
}
