using System.Text;

namespace Spindlewright.Machines.Text;

/// <summary>One thing that is wrong in a text that a person wrote.</summary>
/// <param name="File">The file as its user named it.</param>
/// <param name="Line">Line, from 1; 0 where the file as a whole is meant.</param>
/// <param name="Column">Column, from 1; 0 where the line as a whole is meant.</param>
/// <param name="Key">Path of the key, such as "motor.power" or "belt[2].name"; empty where there is none.</param>
/// <param name="Found">What stands there, made printable; empty where something is missing.</param>
/// <param name="Accepted">What is accepted there; may be empty.</param>
/// <param name="Message">What is wrong and what to do, one clause without a full stop.</param>
public sealed record TextFault(
    string File, int Line, int Column, string Key, string Found, string Accepted, string Message)
{
    /// <summary>"file:line:column key: message; accepted: …".</summary>
    /// <returns>One line of text.</returns>
    public override string ToString()
    {
        var text = new StringBuilder(File);
        if (Line > 0) text.Append(':').Append(Line);
        if (Line > 0 && Column > 0) text.Append(':').Append(Column);
        if (Key.Length > 0) text.Append(Line > 0 ? " " : ": ").Append(Key);
        text.Append(": ").Append(Message);
        if (Accepted.Length > 0) text.Append("; accepted: ").Append(Accepted);
        return text.ToString();
    }
}
