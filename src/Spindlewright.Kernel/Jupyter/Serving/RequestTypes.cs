namespace Spindlewright.Kernel.Jupyter.Serving;

/// <summary>The kinds of requests that this kernel answers, by the protocol's names.</summary>
internal static class RequestTypes
{
    internal const string Execute = "execute_request";
    internal const string IsComplete = "is_complete_request";
    internal const string Complete = "complete_request";
    internal const string Inspect = "inspect_request";
    internal const string History = "history_request";
    internal const string KernelInfo = "kernel_info_request";
    internal const string CommInfo = "comm_info_request";
    internal const string CommOpen = "comm_open";
    internal const string Interrupt = "interrupt_request";
    internal const string Shutdown = "shutdown_request";
}
