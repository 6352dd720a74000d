using System;
using Microsoft.EntityFrameworkCore.Migrations;
using Npgsql.EntityFrameworkCore.PostgreSQL.Metadata;

#nullable disable

namespace Toepan.Api.Store.Migrations
{
    /// <inheritdoc />
    public partial class Reviews : Migration
    {
        /// <inheritdoc />
        protected override void Up(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.CreateTable(
                name: "review_act",
                schema: "lab",
                columns: table => new
                {
                    id = table.Column<long>(type: "bigint", nullable: false)
                        .Annotation("Npgsql:ValueGenerationStrategy", NpgsqlValueGenerationStrategy.IdentityByDefaultColumn),
                    test = table.Column<string>(type: "text", nullable: false),
                    rating_id = table.Column<long>(type: "bigint", nullable: false),
                    kind = table.Column<string>(type: "text", nullable: false),
                    part = table.Column<string>(type: "text", nullable: true),
                    concern = table.Column<string>(type: "text", nullable: true),
                    note = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_review_act", x => x.id);
                    table.ForeignKey(
                        name: "fk_review_act_rating_rating_id",
                        column: x => x.rating_id,
                        principalSchema: "lab",
                        principalTable: "rating",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                    table.ForeignKey(
                        name: "fk_review_act_test_run_test",
                        column: x => x.test,
                        principalSchema: "lab",
                        principalTable: "test_run",
                        principalColumn: "test",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateTable(
                name: "review_withdrawal",
                schema: "lab",
                columns: table => new
                {
                    act_id = table.Column<long>(type: "bigint", nullable: false),
                    reason = table.Column<string>(type: "text", nullable: false),
                    by = table.Column<string>(type: "text", nullable: false),
                    at = table.Column<DateTimeOffset>(type: "timestamp with time zone", nullable: false)
                },
                constraints: table =>
                {
                    table.PrimaryKey("pk_review_withdrawal", x => x.act_id);
                    table.ForeignKey(
                        name: "fk_review_withdrawal_review_act_act_id",
                        column: x => x.act_id,
                        principalSchema: "lab",
                        principalTable: "review_act",
                        principalColumn: "id",
                        onDelete: ReferentialAction.Restrict);
                });

            migrationBuilder.CreateIndex(
                name: "ix_review_act_rating_id",
                schema: "lab",
                table: "review_act",
                column: "rating_id");

            migrationBuilder.CreateIndex(
                name: "ix_review_act_test",
                schema: "lab",
                table: "review_act",
                column: "test");
        }

        /// <inheritdoc />
        protected override void Down(MigrationBuilder migrationBuilder)
        {
            migrationBuilder.DropTable(
                name: "review_withdrawal",
                schema: "lab");

            migrationBuilder.DropTable(
                name: "review_act",
                schema: "lab");
        }
    }
}
