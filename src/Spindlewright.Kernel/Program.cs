using Spindlewright.Kernel.Commands;
using Spindlewright.Kernel.Engine.Child;

return ChildEntry.IsChild(args) ? ChildEntry.Run(args) : CommandTree.Run(args);
