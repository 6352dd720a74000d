using Toepan.Domain.Packages;
using Toepan.Domain.Programme;

namespace Toepan.Domain.Measures;

/// <summary>Package + procedure edition + channel flags → everything methods edition 1 computes.</summary>
public static class Reducer
{
    public static Reduction Reduce(TestPackage package, ProcedureEdition procedure, IReadOnlyList<ChannelFlag> flags) =>
        throw new NotImplementedException();
}
