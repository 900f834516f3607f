using System.Collections.Concurrent;
using System.Text.Json.Serialization;
using System.Threading.Channels;

namespace Studio.Api.Http;

/// <summary>That something changed; never what, so nothing in it can say too much.</summary>
/// <param name="Topic">session, client, flags, moves, jobs, messages, mail and so on.</param>
/// <param name="Id">Which one, when it is one.</param>
public sealed record Change(string Topic, long? Id)
{
    /// <summary>It is about somebody who is there for the owner and herself only.</summary>
    [JsonIgnore]
    public bool Unspoken { get; init; }
}

/// <summary>How far an import has come, for the account that sent it.</summary>
public sealed record ImportProgress(int Read, int Of);

/// <summary>Carries changes from the writers to the pages that are open.</summary>
public sealed class Live
{
    private readonly ConcurrentDictionary<
        Guid,
        (long Account, Channel<object> Channel)
    > _listeners = new();

    private readonly ConcurrentQueue<Action<Change>> _hearing = new();

    /// <summary>Has part of the program itself told of every change, from now on; what it does has to be quick.</summary>
    public void Hear(Action<Change> told) => _hearing.Enqueue(told);

    /// <summary>Tells everybody who listens.</summary>
    public void Publish(Change change)
    {
        foreach (var told in _hearing)
            told(change);
        foreach (var (_, channel) in _listeners.Values)
            channel.Writer.TryWrite(change);
    }

    /// <summary>Tells one account only.</summary>
    public void Publish(long account, ImportProgress progress)
    {
        foreach (var listener in _listeners.Values)
        {
            if (listener.Account == account)
                listener.Channel.Writer.TryWrite(progress);
        }
    }

    /// <summary>Listens until cancelled. A listener that falls behind loses the oldest and asks again anyway.</summary>
    public async IAsyncEnumerable<object> ListenAsync(
        long account,
        [System.Runtime.CompilerServices.EnumeratorCancellation] CancellationToken cancellation
    )
    {
        var id = Guid.NewGuid();
        var channel = Channel.CreateBounded<object>(
            new BoundedChannelOptions(256) { FullMode = BoundedChannelFullMode.DropOldest }
        );
        _listeners[id] = (account, channel);
        try
        {
            await foreach (var item in channel.Reader.ReadAllAsync(cancellation))
                yield return item;
        }
        finally
        {
            _listeners.TryRemove(id, out _);
        }
    }
}
