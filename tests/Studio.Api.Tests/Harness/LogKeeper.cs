using System.Collections.Concurrent;
using Microsoft.Extensions.Logging;

namespace Studio.Api.Tests.Harness;

/// <summary>Keeps what the host logs: messages, their values and exceptions.</summary>
public sealed class LogKeeper : ILoggerProvider
{
    private readonly ConcurrentQueue<(LogLevel Level, string Text)> _lines = new();

    /// <summary>Every line so far.</summary>
    public IReadOnlyList<string> Lines => [.. _lines.Select(l => l.Text)];

    /// <summary>Lines at error and above.</summary>
    public IReadOnlyList<string> Errors =>
        [.. _lines.Where(l => l.Level >= LogLevel.Error).Select(l => l.Text)];

    /// <inheritdoc/>
    public ILogger CreateLogger(string categoryName) => new Keeper(categoryName, _lines);

    /// <inheritdoc/>
    public void Dispose() { }

    private sealed class Keeper(
        string category,
        ConcurrentQueue<(LogLevel Level, string Text)> lines
    ) : ILogger
    {
        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(
            LogLevel logLevel,
            EventId eventId,
            TState state,
            Exception? exception,
            Func<TState, Exception?, string> formatter
        )
        {
            var values = state is IEnumerable<KeyValuePair<string, object?>> pairs
                ? string.Join(' ', pairs.Select(p => $"{p.Key}={p.Value}"))
                : "";
            lines.Enqueue(
                (logLevel, $"{category}: {formatter(state, exception)} [{values}] {exception}")
            );
        }
    }
}
