using NodaTime;
using NodaTime.Text;

namespace Studio.Api.Http;

/// <summary>The clock by which the studio runs: the machine's, unless the setting <c>Studio:Clock</c> says otherwise.</summary>
public static class StudioClock
{
    /// <summary>
    /// An ISO instant makes the clock stand still there; with a leading <c>+</c> it runs on from there. For demo and tests.
    /// </summary>
    /// <exception cref="SettingException">The setting is not an instant.</exception>
    public static IClock From(string? setting)
    {
        if (string.IsNullOrWhiteSpace(setting))
            return SystemClock.Instance;
        var parsed = InstantPattern.ExtendedIso.Parse(setting.TrimStart('+'));
        if (!parsed.Success)
            throw new SettingException(
                $"The setting Studio__Clock is '{setting}'; it takes an instant such as 2026-03-01T08:00:00Z, or +2026-03-01T08:00:00Z."
            );
        return setting[0] == '+'
            ? new Shifted(parsed.Value - SystemClock.Instance.GetCurrentInstant())
            : new Still(parsed.Value);
    }

    private sealed class Still(Instant at) : IClock
    {
        public Instant GetCurrentInstant() => at;
    }

    private sealed class Shifted(Duration by) : IClock
    {
        public Instant GetCurrentInstant() => SystemClock.Instance.GetCurrentInstant() + by;
    }
}
