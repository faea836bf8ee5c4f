using Spindlewright.Notebooks.Format;
using Spindlewright.Notebooks.Running;

namespace Spindlewright.Kernel.Tests.Running;

/// <summary>A folder with notebooks to run, and one for what comes out.</summary>
internal sealed class Folder : IDisposable
{
    public string Path { get; } = Directory.CreateTempSubdirectory("notebooks-").FullName;

    public NotebookJob Add(string name, params string[] cells) => AddText(name, NotebookText.Of(cells));

    public NotebookJob AddText(string name, string text)
    {
        var source = System.IO.Path.Combine(Path, name);
        File.WriteAllText(source, text);
        return new NotebookJob(source, Out(name));
    }

    public string Out(string name) => System.IO.Path.Combine(Path, "out", name);

    public byte[] Written(string name) => File.ReadAllBytes(Out(name));

    public string Text(string name, int cell)
    {
        var outputs = NotebookReader.ReadFile(Out(name)).Cells[cell - 1].Outputs;
        return string.Concat(outputs.Select(output => MultilineText.Join(output!["text"] ?? output["data"]?["text/plain"])));
    }

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
