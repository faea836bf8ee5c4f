using Spindlewright.Kernel.Commands;
using Spindlewright.Kernel.Engine.Child;
using Spindlewright.Kernel.Showing;

return ChildEntry.IsChild(args) ? ChildEntry.Run(args, new DomainFormatters()) : CommandTree.Run(args);
