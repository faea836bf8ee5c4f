using Spindlewright.Notebooks.Protocol;

namespace Spindlewright.Kernel.Tests.Protocol;

public sealed class MessageChannelTests
{
    private static readonly EngineRequest[] Requests =
    [
        new OpenRequest(1, null), new OpenRequest(2, "/x"), new ExecuteRequest(3, "a\n⌀😀", 4), new CompleteRequest(4, "a", 0, 1),
        new HoverRequest(5, "a", 0, 1), new SignatureRequest(6, "a", 0, 1), new IsCompleteRequest(7, "{"),
        new CancelRequest(8, 3), new ValueRequest(9, "a"), new CloseRequest(10),
    ];

    private static readonly EngineEvent[] Events =
    [
        new StreamEvent(3, StreamName.Stderr, "x", IsRaw: true), new FinishedEvent(3, Outcome.Cancelled),
        new CompletenessEvent(3, Completeness.Invalid, "  "), new ErrorEvent(3, "E", "m", [], null, null),
    ];

    [Fact]
    public void Every_request_arrives_as_it_was_sent()
    {
        using var pipe = new MemoryStream();
        using var channel = new MessageChannel(pipe, pipe);
        foreach (var request in Requests)
            channel.Send(request);
        pipe.Position = 0;
        foreach (var request in Requests)
            Assert.Equal(request, channel.ReadRequest());
        Assert.Null(channel.ReadRequest());
        Assert.Equal(typeof(EngineRequest).Assembly.GetTypes().Count(type => type.IsSubclassOf(typeof(EngineRequest))),
            Requests.Select(request => request.GetType()).Distinct().Count());
    }

    [Fact]
    public void Events_arrive_as_they_were_sent()
    {
        using var pipe = new MemoryStream();
        using var channel = new MessageChannel(pipe, pipe);
        var shown = new DisplayEvent(3, MimeBundle.Plain("1").With(MimeBundle.FigureRecord, "{}"), "shown-1");
        foreach (var each in Events.Append(shown))
            channel.Send(each);
        pipe.Position = 0;
        Assert.Equivalent(Events, Events.Select(_ => channel.ReadEvent()));
        Assert.Equivalent(shown, channel.ReadEvent());
    }

    [Theory]
    [InlineData(new byte[] { 1, 0 }, "ended within a message")]
    [InlineData(new byte[] { 5, 0, 0, 0, 123 }, "ended within a message")]
    [InlineData(new byte[] { 255, 255, 255, 255 }, "says that it has -1 bytes")]
    [InlineData(new byte[] { 255, 255, 255, 127 }, "says that it has 2147483647 bytes")]
    [InlineData(new byte[] { 2, 0, 0, 0, 123, 125 }, "not of the protocol")]
    [InlineData(new byte[] { 4, 0, 0, 0, 110, 117, 108, 108 }, "is null")]
    public void What_is_no_message_is_refused(byte[] bytes, string part)
    {
        using var pipe = new MemoryStream(bytes);
        using var channel = new MessageChannel(pipe, Stream.Null);
        Assert.Contains(part, Assert.Throws<ProtocolException>(() => channel.ReadEvent()).Message);
    }
}
